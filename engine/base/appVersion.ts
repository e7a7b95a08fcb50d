/** Version of the program; a test keeps it equal to the package's. Files carry it for information only. */
export const appVersion = '0.1.0';
