/** SVG as data: written out as a file, or put into a page without any text becoming markup. */

export type SvgNode = {
  name: string;
  attributes: Readonly<Record<string, string | number>>;
  children: readonly (SvgNode | string)[];
};

export const node = (
  name: string,
  attributes: SvgNode['attributes'] = {},
  children: SvgNode['children'] = [],
): SvgNode => ({ name, attributes, children });

const NAMESPACE = 'http://www.w3.org/2000/svg';

const ENTITIES: Record<string, string> = {
  '&': '&amp;',
  '<': '&lt;',
  '>': '&gt;',
  '"': '&quot;',
  "'": '&apos;',
};

/** Whether XML 1.0 allows a character. */
function allowed(character: string): boolean {
  const code = character.codePointAt(0)!;
  if (code < 0x20) return code === 0x9 || code === 0xa || code === 0xd;
  return !(code >= 0xd800 && code <= 0xdfff) && code !== 0xfffe && code !== 0xffff;
}

/** Text made safe for XML: marks are written out, characters that XML forbids are left out. */
export function escapeXml(text: string): string {
  return [...text]
    .filter(allowed)
    .map((character) => ENTITIES[character] ?? character)
    .join('');
}

/** As a document of its own. */
export const documentOf = ({ name, attributes, children }: SvgNode): string =>
  written({ name, attributes: { xmlns: NAMESPACE, ...attributes }, children });

function written({ name, attributes, children }: SvgNode): string {
  const told = Object.entries(attributes).map(([key, value]) => ` ${key}="${escapeXml(`${value}`)}"`);
  const inner = children.map((child) => (typeof child === 'string' ? escapeXml(child) : written(child)));
  return inner.length === 0
    ? `<${name}${told.join('')}/>`
    : `<${name}${told.join('')}>${inner.join('')}</${name}>`;
}

/** As an element of the page. */
export function elementOf({ name, attributes, children }: SvgNode): SVGElement {
  const element = document.createElementNS(NAMESPACE, name) as SVGElement;
  for (const [key, value] of Object.entries(attributes)) element.setAttribute(key, `${value}`);
  element.append(...children.map((child) => (typeof child === 'string' ? child : elementOf(child))));
  return element;
}
