export { type KeeperLine, keepersOf } from "./read";
