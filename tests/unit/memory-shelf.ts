/** A shelf in memory, shared by tabs as the browser's database is: what is known is compared and put in one turn. */
import type { Put, Shelf, Shelved } from '../../src/keep/shelf.ts';

export function memoryShelf() {
  const records = new Map<string, Shelved>();
  const state = { full: false, puts: 0 };
  const shelf: Shelf = {
    list: async () => [...records.values()].toSorted((one, other) => other.changed - one.changed),
    get: async (id) => records.get(id) ?? null,
    put: async (panel, known): Promise<Put> => {
      if (state.full) return 'refused';
      const there = records.get(panel.id);
      if (there !== undefined && there.text !== known) return 'theirs';
      state.puts += 1;
      records.set(panel.id, panel);
      return 'put';
    },
    remove: async (id) => records.delete(id) || true,
  };
  return { shelf, records, state };
}
