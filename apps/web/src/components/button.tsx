import type { MouseEvent, ReactNode } from "react";

/** `mark` is the one action that matters on a page; there is at most one. */
type Weight = "mark" | "plain";

const shape =
  "print:hidden inline-flex min-h-12 items-center justify-center border px-5 py-2 font-semibold no-underline cursor-pointer sm:min-h-11";
const weights: Readonly<Record<Weight, string>> = {
  mark: "border-red bg-red text-on-red hover:border-ink hover:bg-ink hover:text-paper",
  plain: "border-ink bg-paper text-ink hover:bg-ink hover:text-paper",
};

export interface ButtonProps {
  readonly children: ReactNode;
  readonly weight?: Weight;
  readonly name?: string;
  readonly value?: string;
  /** Sends the form to another page instead, with what was typed in its address. */
  readonly formAction?: string;
  readonly formMethod?: "get";
  /** Id of the form it sends, where it does not stand in it. */
  readonly form?: string;
  /** `button` for one that sends nothing. */
  readonly type?: "button";
  readonly onClick?: (event: MouseEvent<HTMLButtonElement>) => void;
}

/** Sends the form it stands in. A verb: "Print 42 sheets". */
export function Button({ children, weight = "plain", ...rest }: ButtonProps) {
  return (
    <button type="submit" className={`${shape} ${weights[weight]}`} {...rest}>
      {children}
    </button>
  );
}

export interface LinkButtonProps {
  readonly children: ReactNode;
  readonly href: string;
  readonly weight?: Weight;
}

/** A link that looks like what it does: it leads to a page or a file. */
export function LinkButton({ children, href, weight = "plain" }: LinkButtonProps) {
  return (
    <a href={href} className={`${shape} ${weights[weight]}`}>
      {children}
    </a>
  );
}
