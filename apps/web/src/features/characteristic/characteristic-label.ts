/** What the fields of a characteristic are called in a list of what is wrong. */
export const characteristicLabels: Readonly<Record<string, string>> = {
  key: "Key",
  label: "Label",
  assembly: "Assembly",
  kind: "Kind",
  help: "What is meant",
  also: "Other names",
  dimension: "Dimension",
  metric: "Metric unit",
  imperial: "Imperial unit",
  minimum: "Least that can be believed",
  usualLowest: "Lowest that is usual",
  usualHighest: "Highest that is usual",
  maximum: "Most that can be believed",
  toe: "Notation",
  maximumLength: "Longest text",
  choices: "Choices",
};
