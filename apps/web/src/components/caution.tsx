/** What can hurt somebody, said where it is read. Drawn in ink, so that it stays in a black and white print. */
export function Caution({ cautions }: { readonly cautions: readonly string[] }) {
  if (cautions.length === 0) return null;
  return (
    <aside
      aria-label="Caution"
      className="flex max-w-prose items-start gap-3 border-ink border-y-2 py-3 text-small"
    >
      <svg aria-hidden viewBox="0 0 24 22" width="24" height="22" className="mt-0.5 shrink-0">
        <path
          d="M12 1.8 22.6 20.4H1.4z"
          fill="none"
          className="stroke-ink"
          strokeWidth="1.8"
          strokeLinejoin="round"
        />
        <path d="M12 8v6.4M12 16v2" className="stroke-ink" strokeWidth="2" />
      </svg>
      <div className="grid gap-1">
        {cautions.map((caution) => (
          <p key={caution}>{caution}</p>
        ))}
      </div>
    </aside>
  );
}
