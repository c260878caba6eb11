/** A drawing that cannot be made as asked: the text says what, where and what was expected. */
export class DrawingError extends Error {
  override readonly name = 'DrawingError';
}
