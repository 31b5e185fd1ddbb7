/** A member of the demo who keeps one of its cars, and so has it in his own list. */
export interface DemoKeeping {
  readonly club: string;
  /** One whose keeper the register file does not name, so that reading the file again changes nothing. */
  readonly car: string;
  readonly member: string;
  readonly address: string;
  /** As written. */
  readonly from: string;
}

export const keepings: readonly DemoKeeping[] = [
  {
    club: "sandvaer",
    car: "S3-0338",
    member: "owner@demo.test",
    address: "Naustvegen 4, Kvitnes",
    from: "5/2011",
  },
];
