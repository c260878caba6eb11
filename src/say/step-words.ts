const GREEK: Readonly<Record<string, string>> = {
  psi: 'ψ',
  gamma: 'γ',
  alpha: 'α',
  eta: 'η',
  phi: 'φ',
  lambda: 'λ',
};

/** A symbol as people write it: ψ for psi, a comma between index parts. `psi_s_N` → `ψ_s,N`. */
export function showSymbol(symbol: string): string {
  const [name, ...index] = symbol.split('_').map((part) => GREEK[part] ?? part);
  return index.length === 0 ? `${name}` : `${name}_${index.join(',')}`;
}

/** Where a part of a formula ends: at the bracket or comma that closes what is around it. */
function findEnd(text: string, from: number, step: 1 | -1): number {
  const [opens, closes] = step > 0 ? ['(', ')'] : [')', '('];
  let depth = 0;
  for (let i = from; i >= 0 && i < text.length; i += step) {
    if (text[i] === opens) depth += 1;
    else if (depth === 0 && (text[i] === closes || text[i] === ',')) return i;
    else if (text[i] === closes) depth -= 1;
  }
  return step > 0 ? text.length : -1;
}

/** Says a choice in words: `d <= 24 ? 12 * d : 300` → `12 * d if d <= 24 else 300`. */
export function sayChoices(text: string): string {
  const mark = text.indexOf(' ? ');
  if (mark < 0) return text;
  const start = findEnd(text, mark, -1) + 1;
  const end = findEnd(text, mark + 3, 1);
  const split = text.indexOf(' : ', mark);
  const before = text.slice(0, start) + (text[start] === ' ' ? ' ' : '');
  const condition = text.slice(start, mark).trim();
  const yes = text.slice(mark + 3, split);
  const no = sayChoices(text.slice(split + 3, end));
  return `${before}${yes} if ${condition} else ${no}${sayChoices(text.slice(end))}`;
}

/** A formula with its symbols as people write them. */
export function showFormula(formula: string): string {
  return sayChoices(formula.replace(/[A-Za-z_][A-Za-z0-9_]*/g, (word) => showSymbol(word)));
}

/** Symbols in a sentence: only words with an index are meant. */
export function showSentence(text: string): string {
  return text.replace(/\b[A-Za-z][A-Za-z0-9]*(?:_[A-Za-z0-9]+)+/g, (word) => showSymbol(word));
}
