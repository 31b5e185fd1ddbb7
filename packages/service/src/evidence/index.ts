export {
  type AddEvidenceInput,
  type AddedPiece,
  addEvidence,
  addEvidenceInput,
  requireMayAdd,
  type StoredFile,
} from "./add";
export { lockPiece } from "./link";
export { type PieceLine, pieceFields, pieceKey, pieceLine } from "./piece";
export {
  type CarEvidence,
  carEvidence,
  type EvidenceFile,
  type EvidencePiece,
  evidenceFile,
  evidencePiece,
  type PieceLink,
  type SupportGroup,
  type TargetChoice,
  type TargetEvidence,
  targetEvidence,
} from "./read";
export {
  type CarSupport,
  carSupport,
  evidenceCounts,
  evidenceFor,
  evidenceOf,
  type SupportLine,
} from "./support";
export type { TargetLine } from "./target";
export {
  correctEvidence,
  correctEvidenceInput,
  linkEvidence,
  linkEvidenceInput,
  restoreEvidence,
  restoreEvidenceInput,
  turnEvidence,
  turnEvidenceInput,
  unlinkEvidence,
  unlinkEvidenceInput,
  withdrawEvidence,
  withdrawEvidenceInput,
} from "./write";
