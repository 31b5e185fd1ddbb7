export { rememberedMapping } from "./read";
export { keepMapping } from "./write";
