import type { Metadata } from "next";
import { CarPage } from "../../../../../features/car/car-page";
import {
  acrossAssemblies,
  assemblyStates,
  countsOf,
  faceOf,
  historyLines,
  settingGroups,
  standingOf,
} from "../../../../../features/car/present";
import { ConsequenceSection } from "../../../../../features/consequence/consequence-section";
import { CarEventSection } from "../../../../../features/event/car-event-section";
import { supportedBy } from "../../../../../features/evidence/supported";
import { MixSection } from "../../../../../features/part/mix-section";
import { fromSegment } from "../../../../../lib/address";
import { leadersOf, sideWords } from "../../../../../lib/assembly";
import { cautions } from "../../../../../lib/caution";
import { clubPage } from "../../../../../lib/club-page";
import { sayLongDay } from "../../../../../lib/day";
import { carPath } from "../../../../../lib/path";

interface Segments {
  readonly params: Promise<{ readonly club: string; readonly car: string }>;
  readonly searchParams: Promise<{ readonly against?: string }>;
}

export async function generateMetadata({ params }: Segments): Promise<Metadata> {
  return { title: fromSegment((await params).car) };
}

export default async function Page({ params, searchParams }: Segments) {
  const segments = await params;
  const { club } = segments;
  const car = fromSegment(segments.car);
  const baseline = (await searchParams).against === "asBuilt" ? "asBuilt" : "factory";
  return clubPage({
    club,
    at: "register",
    path: carPath(club, car, baseline === "asBuilt" ? { against: baseline } : {}),
    load: async (api) => {
      const page = await api.car.page({ club, car });
      const events = await api.event.ofCar({ club, car });
      const mixes = await api.part.mixes({ club, car });
      return { page, events, mixes, worked: await api.consequence.list({ club, car }) };
    },
    draw: ({ page, events, mixes, worked }, face) => {
      const lines = baseline === "asBuilt" ? page.asBuilt : page.deviating;
      const supported = supportedBy(club, page.support);
      return (
        <CarPage
          club={face}
          car={faceOf(page)}
          on={sayLongDay(page.on)}
          baseline={baseline}
          leaders={leadersOf(countsOf(page.deviating))}
          deviations={supported.rows(acrossAssemblies(lines, page.club.sideWords))}
          notRecorded={page.notRecorded}
          settings={supported.settings(settingGroups(page))}
          sideWords={sideWords[page.club.sideWords]}
          assemblies={supported.assemblies(assemblyStates(page))}
          history={supported.history(historyLines(page))}
          evidence={page.evidence}
          cautions={cautions.car}
          consequences={<ConsequenceSection club={club} car={page.car.reference} {...worked} />}
          mixes={<MixSection club={club} mixes={mixes} />}
          events={<CarEventSection club={club} car={page.car.reference} events={events} />}
          standing={standingOf(page)}
          maySubmit={page.mayEdit || page.keepers?.some(({ own, to }) => own && to === undefined) === true}
        />
      );
    },
  });
}
