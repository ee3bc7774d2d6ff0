/** A written pattern before it is text: sections of paragraphs, lists and tables, for any format. */

export type Block =
  | { kind: 'paragraph'; text: string }
  | { kind: 'list'; items: readonly string[] }
  /** Acts in their order. */
  | { kind: 'acts'; items: readonly string[] }
  | { kind: 'table'; head: readonly string[]; rows: readonly (readonly string[])[] };

export type Section = { heading: string; blocks: readonly Block[] };

export type Written = {
  /** BCP 47, for the page's `lang`. */
  language: string;
  title: string;
  /** Under the title: by whom, the terms, the hand. */
  head: readonly string[];
  sections: readonly Section[];
};
