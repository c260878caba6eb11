/** The version that this program writes. A change of shape adds one step to `migrate.ts`. */
export const JOB_FILE_VERSION = 4;
