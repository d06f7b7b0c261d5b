declare module '@micropython/micropython-webassembly-pyscript/micropython.mjs' {
  interface MicroPython {
    runPython(code: string): unknown;
    readonly globals: { get(name: string): unknown };
  }
  export function loadMicroPython(options?: {
    stdout?: (text: string) => void;
    linebuffer?: boolean;
  }): Promise<MicroPython>;
}
