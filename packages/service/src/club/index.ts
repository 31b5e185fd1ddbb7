export { isHealthy, listClubs, type MyClub, myClubs } from "./read";
