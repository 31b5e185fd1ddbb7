import { type ListFileRequest, listDownload, requestOf } from "@trunnion/api";
import { download } from "../../../../../../features/export/download";
import { fromSegment } from "../../../../../../lib/address";
import { columnsOf } from "../../../../../../lib/register-column";
import { orderAsked } from "../../../../../../lib/register-order";
import { asOneCondition, queryPart, registerSearch } from "../../../../../../lib/register-search";
import { service } from "../../../../../../lib/service";

interface Segments {
  readonly params: Promise<{ readonly club: string; readonly file: string }>;
}

/** What an address asks for, of what is said there; what is not said is left out. */
function asked(club: string, file: string, query: Readonly<Record<string, string>>): ListFileRequest {
  const [list = "", ending] = file.split(".");
  const search = asOneCondition(registerSearch(query));
  const { q, show, series, where, filter } = search;
  const order = orderAsked(search);
  const [car, event] = [queryPart(query, "car"), queryPart(query, "event")];
  return {
    club,
    list,
    format: ending === "xlsx" ? "xlsx" : "csv",
    personalData: query.people === "yes",
    columns: columnsOf(search),
    ...(order === undefined ? {} : { order }),
    ...(series === undefined ? {} : { series }),
    ...(where === undefined ? {} : { where }),
    ...(filter === undefined ? {} : { filter }),
    ...(q === undefined ? {} : { search: q }),
    ...(show === "unknown" ? { show } : {}),
    ...(car === undefined ? {} : { car }),
    ...(event === undefined ? {} : { event }),
  };
}

/** A list as a file: `cars.csv`, `found.csv`, `state.xlsx`, `journal.csv`, `entries.csv`. */
export async function GET(request: Request, { params }: Segments): Promise<Response> {
  const segments = await params;
  const file = fromSegment(segments.file);
  if (!/\.(csv|xlsx)$/.test(file)) return new Response("There is no such list.\n", { status: 404 });
  const query = Object.fromEntries(new URL(request.url).searchParams);
  return download("list", async () =>
    listDownload(await requestOf(service(), request.headers), asked(fromSegment(segments.club), file, query)),
  );
}
