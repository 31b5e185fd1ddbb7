export { codeOf } from "./policy";
export {
  bookOf,
  type CharacteristicUse,
  listOwnCharacteristics,
  type OwnCharacteristic,
  ownCharacteristic,
} from "./read";
export {
  type AddCharacteristicInput,
  addCharacteristic,
  addCharacteristicInput,
  type ChangeCharacteristicInput,
  changeCharacteristic,
  changeCharacteristicInput,
  characteristicTexts,
} from "./write";
