import { z } from "zod";
import { defineComputation } from "../catalogue/computation";
import { tyreDate } from "./date-code";

export const tyreDateComputation = defineComputation({
  name: "tyre.date",
  title: "Tyre date code",
  summary: "When a tyre was made, as far as the figures behind DOT tell.",
  input: z.object({
    code: z
      .string()
      .max(40)
      .meta({ title: "Date code", description: "The last three or four figures behind DOT, e.g. 0617" }),
  }),
  outputs: {
    week: { how: ["week", "first two figures of the code"], label: "Week", dimension: "count" },
    year: {
      how: ["year", "figures after the week, since 2000; a single one tells no decade"],
      label: "Year",
      dimension: "count",
    },
    made: { label: "Made", dimension: "text" },
  },
  source: [{ title: "Insurer's article on tyre date codes", status: "read" }],
  validity: "Four figures since 2000. Three figures are from before 2000 and do not tell the decade.",
  caution: "Old rubber fails whatever its tread. Organisers and makers set their own age limits.",
  example: { code: "0617" },
  compute({ code }) {
    const { week, year, yearDigit } = tyreDate(code);
    const made =
      year === null
        ? `week ${week} of a year ending in ${yearDigit}, decade unknown, before 2000`
        : `week ${week} of ${year}`;
    const working = () => [
      { symbol: "code", label: "Date code", value: code.trim() },
      {
        symbol: "made",
        label: "Read as",
        formula: year === null ? "week, last figure of the year" : "week, year since 2000",
        value: made,
      },
    ];
    return {
      outputs: { week, year, made },
      working,
      warnings: year === null ? ["The decade is not on the tyre: it is more than twenty years old."] : [],
    };
  },
});
