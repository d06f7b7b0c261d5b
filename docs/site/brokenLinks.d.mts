export declare function brokenLinks(folder: string): string[];
