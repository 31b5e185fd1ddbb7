import type { Verdict } from "../deviation/deviation";

/** Version of the dossier's layout that this program draws. */
export const DOSSIER_LAYOUT = 1;

export interface DossierRow {
  /** With its side, where it has one: "Front camber, left". */
  readonly label: string;
  readonly actual: string;
  readonly specified: string;
  readonly difference: string;
  readonly verdict: Verdict;
  readonly verdictText: string;
  /** Where it is known from and how far it is trusted; empty for what only the specification says. */
  readonly known: string;
}

export interface DossierEvent {
  /** As it is known: "c. 1971". */
  readonly on: string;
  readonly title: string;
  readonly text: string;
  readonly changes: readonly string[];
  readonly known: string;
}

export interface DossierEvidence {
  readonly id: string;
  readonly caption: string;
  readonly taken: string;
  /** What it supports, in words. */
  readonly supports: readonly string[];
  /** True where a picture of it comes with the model. */
  readonly pictured: boolean;
}

/** Everything a car's dossier says, finished: the drawing adds nothing and works nothing out. */
export interface DossierModel {
  readonly layoutVersion: number;
  /** Hash of the record it was made from (hex). */
  readonly recordHash: string;
  readonly recordVersion: number;
  /** ISO instant. */
  readonly preparedAt: string;
  readonly club: string;
  readonly car: {
    readonly chassis: string;
    readonly marque: string;
    readonly series: string;
    /** "claim 1 of 2 to this number", or empty. */
    readonly claim: string;
  };
  /** ISO day the state is of, as written: "25 November 2026". */
  readonly on: string;
  readonly facts: readonly { readonly label: string; readonly value: string }[];
  /** Personal data; left out unless asked for by somebody who may see them. */
  readonly keepers?: readonly { readonly name: string; readonly span: string }[];
  readonly deviations: readonly DossierRow[];
  readonly history: readonly DossierEvent[];
  readonly assemblies: readonly {
    readonly label: string;
    readonly rows: readonly DossierRow[];
    /** Labels of what is neither specified nor recorded. */
    readonly notRecorded: readonly string[];
  }[];
  readonly evidence: readonly DossierEvidence[];
  readonly cautions: readonly string[];
}
