export type { ByteRange } from "./blobs";
export { readStoreSettings, StoreSettingError, type StoreSettings } from "./setting";
export { type ClubStore, openStore, type Store, type StoreName, type StoreState } from "./store";
