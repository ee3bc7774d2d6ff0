import { registerOffline } from './keep/offline.ts';

registerOffline(() => {});
