// Only what the plots use. The published types come in packages of their own, which add nothing to these four shapes.
declare module "d3-scale" {
  export interface Scale<Domain> {
    (value: Domain): number;
    domain(ends: readonly [Domain, Domain]): this;
    range(ends: readonly [number, number]): this;
    nice(count?: number): this;
    ticks(count?: number): Domain[];
    tickFormat(count?: number): (value: Domain) => string;
  }
  export function scaleLinear(): Scale<number>;
  export function scaleUtc(): Scale<Date>;
}
declare module "d3-shape" {
  export interface Line<Datum> {
    (data: readonly Datum[]): string | null;
    x(at: (datum: Datum) => number): this;
    y(at: (datum: Datum) => number): this;
  }
  export function line<Datum>(): Line<Datum>;
}
