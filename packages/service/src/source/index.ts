export { listSources, type SourceLine } from "./read";
export { type ProvenanceColumns, provenanceOf, type ReadProvenance } from "./write";
