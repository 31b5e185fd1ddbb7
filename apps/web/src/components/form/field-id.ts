/** Id of a field's control in the page, by its name: what the list of errors links to. */
export const fieldId = (name: string): string => `field-${name.replace(/[^A-Za-z0-9]+/g, "-")}`;
