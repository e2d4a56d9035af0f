/** The bundler gives a font as a data address, so that it is a part of the file that asks for it. */
declare module "*.ttf?inline" {
  const address: string;
  export default address;
}
