export * from "./bar/index";
export * from "./brake/index";
export * from "./catalogue/index";
export * from "./measurement/index";
export * from "./quantity/index";
export * from "./roll/index";
export * from "./spring/index";
export * from "./tyre/index";
