/** Where the build puts the search's thread; made by a plugin in `vite.config.ts`. */
declare module 'virtual:search-address' {
  const address: string;
  export default address;
}
