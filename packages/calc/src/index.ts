export * from "./catalogue/index";
export * from "./quantity/index";
