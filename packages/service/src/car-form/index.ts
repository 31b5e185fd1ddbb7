export {
  type AsBuiltFormRow,
  type CarForm,
  type CharacteristicChoice,
  carForm,
  characteristicChoice,
  findCharacteristics,
  type IdentityFormRow,
  type KeepershipFormRow,
  type NoteFormRow,
  type RowProvenance,
  type StatusFormRow,
} from "./read";
