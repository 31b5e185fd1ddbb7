/** The mark: a trunnion with its two pins, on its centre lines. `short` leaves the name out on a narrow screen. */
export function Wordmark({ short = false }: { readonly short?: boolean }) {
  return (
    <span className="inline-flex items-center gap-2 font-semibold text-lead">
      <svg aria-hidden viewBox="0 0 30 24" width="30" height="24" className="shrink-0">
        <g fill="none" className="stroke-ink">
          <circle cx="15" cy="12" r="7" strokeWidth="2" />
          <path d="M0 9.5h8.6M0 14.5h8.6M21.4 9.5H30M21.4 14.5H30" strokeWidth="2" />
          <path d="M15 1v22M11.5 12h7" strokeWidth="1" strokeDasharray="6 1.5 1.5 1.5" />
        </g>
      </svg>
      <span className={short ? "hidden wide:inline" : ""}>Trunnion</span>
    </span>
  );
}
