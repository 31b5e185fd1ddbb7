/** Called once when the server starts: what runs beside the requests begins here. */
export async function register(): Promise<void> {
  const { onServer } = await import("./env");
  if (!onServer()) return;
  const { mailWhatWaits } = await import("./lib/mail");
  mailWhatWaits();
}
