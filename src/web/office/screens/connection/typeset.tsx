import type { ComponentChildren } from 'preact';

/** Indices, powers, products and roots of a formula as text: `psi_s,N * sqrt(f_ck)^2`. */
const SIGNS = /(_[^\s()*/+^=,;:-]+(?:,[^\s()*/+^=,;:-]+)*)|(\^-?[\d.]+)|( \* )|(sqrt)(?=\()|(<=)|(>=)|(mm2)\b/g;

/** A formula as it is written by hand: indices below, powers above, a dot for a product. Read aloud and copied it says the same. */
export function Typeset({ text }: { readonly text: string }) {
  const parts: ComponentChildren[] = [];
  let from = 0;
  for (const found of text.matchAll(SIGNS)) {
    const [whole, index, power, product, root, least, most] = found;
    parts.push(text.slice(from, found.index));
    from = found.index + whole.length;
    if (index !== undefined) parts.push(<sub key={from}>{index.slice(1)}</sub>);
    else if (power !== undefined) parts.push(<sup key={from}>{power.slice(1)}</sup>);
    else if (product !== undefined) parts.push(' · ');
    else if (root !== undefined) parts.push('√');
    else if (least !== undefined) parts.push('≤');
    else if (most !== undefined) parts.push('≥');
    else parts.push('mm²');
  }
  parts.push(text.slice(from));
  return <>{parts}</>;
}
