/** Colours of a terminal, as notebooks show them in error messages. */
export const red = (text: string): string => `\x1b[31m${text}\x1b[0m`;
/** For what most readers may pass over. */
export const faint = (text: string): string => `\x1b[2m${text}\x1b[0m`;
