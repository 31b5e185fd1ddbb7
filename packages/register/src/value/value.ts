/**
 * A recorded value, with what was entered kept to the letter.
 * `absent` says the thing is known not to be there; not knowing is the lack of a value, never a value.
 */
export type Value =
  | { readonly kind: "quantity"; readonly si: number; readonly resolution: number; readonly entered: string }
  | { readonly kind: "choice"; readonly code: string; readonly entered: string }
  | { readonly kind: "designation"; readonly canonical: string; readonly entered: string }
  | { readonly kind: "text"; readonly text: string; readonly entered: string }
  | { readonly kind: "date"; readonly date: string; readonly entered: string }
  | { readonly kind: "absent"; readonly entered: string };
