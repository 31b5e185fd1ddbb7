export {
  type FilledSheet,
  filledSheetsInput,
  lookAtForm,
  type SheetLook,
  type SheetLookFinding,
} from "./read";
export { takeForm } from "./write";
