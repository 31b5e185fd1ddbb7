export { type SetAsBuiltInput, setAsBuilt, setAsBuiltInput } from "./write";
