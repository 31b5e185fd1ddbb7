import type { RefusalText } from "@trunnion/register";
import type { ReactNode } from "react";

export interface NoticeProps {
  /** What was wrong and where, then what to do: the wording of a refusal. */
  readonly text: RefusalText;
  /** `alert` for what just happened to a form; `note` for what is simply so. */
  readonly tone?: "alert" | "note";
  /** Lines to look at one by one: the rows a file was refused for. */
  readonly details?: readonly string[];
  readonly children?: ReactNode;
}

/** Says no in two sentences: what, then the remedy. */
export function Notice({ text, tone = "alert", details = [], children }: NoticeProps) {
  return (
    <div
      {...(tone === "alert" ? { role: "alert" } : {})}
      className={`max-w-prose border-l-4 py-1 pl-4 ${tone === "alert" ? "border-red" : "border-line"}`}
    >
      <p className="font-semibold">{text.what}</p>
      <p>{text.remedy}</p>
      {details.length === 0 ? null : (
        <ul className="mt-2 list-disc pl-5 text-small">
          {details.map((detail) => (
            <li key={detail}>{detail}</li>
          ))}
        </ul>
      )}
      {children}
    </div>
  );
}
