/** The system's code of a failed read (`ENOENT`, …), else its message. */
export function reasonOf(error: unknown): string {
  if (error instanceof Error) return 'code' in error && typeof error.code === 'string' ? error.code : error.message;
  return String(error);
}
