/** The system's short code of a failed file operation, such as `ENOENT`. */
export function findErrorCode(error: unknown): string {
  return error instanceof Error && 'code' in error && typeof error.code === 'string' ? error.code : 'unknown';
}
