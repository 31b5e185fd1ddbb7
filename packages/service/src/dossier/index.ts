export { type DossierFile, type DossierPicture, dossierPictures } from "./picture";
export { type Dossier, type DossierInput, dossierOf } from "./read";
