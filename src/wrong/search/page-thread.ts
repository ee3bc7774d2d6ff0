/** Starts the search's thread from the page. */
import address from 'virtual:search-address';
import type { Thread } from './thread.ts';

type ScriptPolicy = { createScriptURL(address: string): string };
type PolicyMaker = {
  createPolicy(name: string, rules: { createScriptURL(address: string): string }): ScriptPolicy;
};

let trusted: string | null = null;

/** The address in the form that the content policy asks for, where the browser knows that form. */
function trustedAddress(): string {
  const maker = (globalThis as { trustedTypes?: PolicyMaker }).trustedTypes;
  trusted ??= maker
    ? maker.createPolicy('search', { createScriptURL: () => address }).createScriptURL('')
    : address;
  return trusted;
}

export const startThread = (): Thread => new Worker(trustedAddress(), { type: 'module', name: 'search' });
