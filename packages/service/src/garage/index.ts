export { type CarEvent, type DueItem, type Expected, type Garage, type GarageCar, garage } from "./read";
