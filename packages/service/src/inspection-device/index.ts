export { type DeviceLine, devicesOf } from "./read";
export { type DeviceInput, deviceInput, type HeardOf, hearOf } from "./write";
