/** The key that presses a button, drawn as a key; for who hears the page, after the button's name. */
export function KeyHint({ of }: { readonly of: string }) {
  return (
    <kbd className="scriptless:hidden ml-2 inline-grid size-6 place-items-center border border-current text-fine">
      <span className="sr-only">key </span>
      {of}
    </kbd>
  );
}

/** Whether a key was pressed to write something, or with another: then it is no command. */
export function isTyping(event: KeyboardEvent): boolean {
  if (event.altKey || event.ctrlKey || event.metaKey || event.isComposing) return true;
  const target = event.target instanceof Element ? event.target : null;
  return target?.closest("input:not([type=checkbox]), textarea, select, [contenteditable]") != null;
}
