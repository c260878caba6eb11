/** Version of the engine; goes into every result, so that a stored answer can be computed again and compared. */
export const ENGINE_VERSION = '0.1.0';
