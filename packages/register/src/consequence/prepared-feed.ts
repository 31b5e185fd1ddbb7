import { stateKey } from "../state/key";
import type { Feed, Place } from "./binding";

type Of<From extends Feed["from"]> = Extract<Feed, { readonly from: From }>;

/** A place with its key in a state's map. */
export interface KeyedPlace {
  readonly place: Place;
  readonly at: string;
}

/**
 * A feed with all that does not depend on the car worked out once: where in the input it goes, and the keys it asks a
 * state for. A fleet reads each feed once per car.
 */
export type PreparedFeed =
  | {
      readonly from: "characteristic";
      readonly feed: Of<"characteristic">;
      readonly at: string;
      readonly field: string;
    }
  | { readonly from: "assumption"; readonly feed: Of<"assumption">; readonly field: string }
  | { readonly from: "result"; readonly feed: Of<"result">; readonly field: string }
  | {
      readonly from: "values";
      readonly feed: Of<"values">;
      readonly of: readonly KeyedPlace[];
      readonly field: string;
    }
  | { readonly from: "firstOf"; readonly feeds: readonly PreparedFeed[] }
  | PreparedGroup;

export interface PreparedGroup {
  readonly from: "group";
  readonly fields: readonly { readonly name: string; readonly feed: PreparedFeed }[];
}

const keyed = (place: Place): KeyedPlace => ({ place, at: stateKey(place.key, place.side ?? "whole") });

/** @param field where it goes in the computation's input: `front.track`; empty for the whole */
export function prepareFeed(feed: Feed, field: string): PreparedFeed {
  switch (feed.from) {
    case "characteristic":
      return { from: feed.from, feed, at: keyed(feed).at, field };
    case "assumption":
      return { from: feed.from, feed, field };
    case "result":
      return { from: feed.from, feed, field };
    case "values":
      return { from: feed.from, feed, of: feed.of.map(keyed), field };
    case "firstOf":
      return { from: feed.from, feeds: feed.feeds.map((each) => prepareFeed(each, field)) };
    case "group":
      return prepareGroup(feed.fields, field);
  }
}

/** An object of feeds, each under its name. */
export function prepareGroup(feeds: Readonly<Record<string, Feed>>, field: string): PreparedGroup {
  const fields = Object.entries(feeds).map(([name, feed]) => ({
    name,
    feed: prepareFeed(feed, field === "" ? name : `${field}.${name}`),
  }));
  return { from: "group", fields };
}
