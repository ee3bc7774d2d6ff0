/** Where the build puts the photo's thread; made by a plugin in `vite.config.ts`. */
declare module 'virtual:photo-address' {
  const address: string;
  export default address;
}
