export { type CarListInput, type CarListRow, findCar, listCars } from "./read";
