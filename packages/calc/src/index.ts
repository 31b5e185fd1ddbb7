export * from "./bar/index";
export * from "./catalogue/index";
export * from "./quantity/index";
