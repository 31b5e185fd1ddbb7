export { type Home, home, type OwnCar } from "./read";
