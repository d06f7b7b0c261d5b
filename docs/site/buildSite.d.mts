export declare function buildSite(folder: string): Promise<void>;
