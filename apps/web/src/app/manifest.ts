import type { MetadataRoute } from "next";

/** Lets the application be put on a phone's first page. */
export default function manifest(): MetadataRoute.Manifest {
  return {
    name: "Trunnion",
    short_name: "Trunnion",
    description: "The register, calculator and scrutineering desk of a car club.",
    start_url: "/",
    scope: "/",
    display: "standalone",
    background_color: "#f8f4ea",
    theme_color: "#f8f4ea",
    icons: [
      { src: "/icon.svg", sizes: "any", type: "image/svg+xml" },
      { src: "/apple-icon.png", sizes: "180x180", type: "image/png" },
    ],
  };
}
