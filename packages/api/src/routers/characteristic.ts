import {
  addCharacteristic,
  addCharacteristicInput,
  changeCharacteristic,
  changeCharacteristicInput,
  characteristicTexts,
  listOwnCharacteristics,
  ownCharacteristic,
} from "@trunnion/service";
import { z } from "zod";
import { line } from "../line";
import { member, router } from "../trpc";

export const characteristicRouter = router({
  own: member.query(({ ctx }) => listOwnCharacteristics(ctx.scope)),
  page: member.input(z.object({ key: line(120).min(1) })).query(async ({ ctx, input }) => {
    const page = await ownCharacteristic(ctx.scope, input.key);
    return { ...page, texts: characteristicTexts(page.characteristic) };
  }),
  add: member.input(addCharacteristicInput).mutation(({ ctx, input }) => addCharacteristic(ctx.scope, input)),
  change: member
    .input(changeCharacteristicInput)
    .mutation(({ ctx, input }) => changeCharacteristic(ctx.scope, input)),
});
