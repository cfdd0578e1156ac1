/**
 * The headers of every answer: scripts, styles and connections of this server only, no frame around it, nothing
 * told to other sites, nothing guessed about types.
 */
export function securityHeaders(port: number): Readonly<Record<string, string>> {
  return {
    "Content-Security-Policy": [
      "default-src 'self'",
      "script-src 'self'",
      "style-src 'self' 'unsafe-inline'",
      "img-src 'self' data: blob:",
      "font-src 'self' data:",
      `connect-src 'self' ws://127.0.0.1:${port}`,
      "frame-ancestors 'none'",
      "base-uri 'none'",
      "form-action 'none'",
      "object-src 'none'",
    ].join("; "),
    "Cross-Origin-Opener-Policy": "same-origin",
    "Cross-Origin-Resource-Policy": "same-origin",
    "Referrer-Policy": "no-referrer",
    "X-Content-Type-Options": "nosniff",
    "X-Frame-Options": "DENY",
  };
}

/**
 * For a report: a page of its own that may run the scripts it brings, but stands outside this server's origin, so
 * that it can neither read nor change anything here.
 */
export const reportSecurity: string =
  "sandbox allow-scripts allow-downloads allow-modals; default-src 'none'; script-src 'unsafe-inline'; style-src 'unsafe-inline'; img-src data: blob:; font-src data:; form-action 'none'; base-uri 'none'; frame-ancestors 'none'";
