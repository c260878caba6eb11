/** Numbers of which the smallest is taken first. */
export class NumberHeap {
  readonly #numbers: number[] = [];

  push(value: number): void {
    const numbers = this.#numbers;
    let at = numbers.length;
    while (at > 0) {
      const above = (at - 1) >> 1;
      if (numbers[above]! <= value) break;
      numbers[at] = numbers[above]!;
      at = above;
    }
    numbers[at] = value;
  }

  /** Takes the smallest away; undefined where there is none. */
  pop(): number | undefined {
    const numbers = this.#numbers;
    const smallest = numbers[0];
    const last = numbers.pop();
    if (last === undefined || numbers.length === 0) return smallest;
    let at = 0;
    for (;;) {
      let below = 2 * at + 1;
      if (below >= numbers.length) break;
      if (below + 1 < numbers.length && numbers[below + 1]! < numbers[below]!) below += 1;
      if (numbers[below]! >= last) break;
      numbers[at] = numbers[below]!;
      at = below;
    }
    numbers[at] = last;
    return smallest;
  }
}
