export { type DossierInput, dossierOf } from "./read";
