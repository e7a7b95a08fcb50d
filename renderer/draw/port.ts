/** An optical port: the controller's port of a chain, or one of the two ports of a unit. */
export type Port = { readonly chain: string } | { readonly unit: string; readonly side: 'up' | 'down' };
