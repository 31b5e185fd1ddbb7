/** What can be chosen. HEIC is not named: so a telephone that has it turns it into JPEG by itself. */
export const ACCEPT = "image/jpeg,image/png,image/webp,image/avif,image/tiff,application/pdf";
