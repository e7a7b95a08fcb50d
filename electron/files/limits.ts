/**
 * More than any file of ours may have (the engine refuses from 20 MB on, with a better message), so that no file and no call can fill
 * the memory.
 */
export const mostFileMegabytes = 21;
export const bytesPerMegabyte = 1024 * 1024;
export const mostFileBytes = mostFileMegabytes * bytesPerMegabyte;
