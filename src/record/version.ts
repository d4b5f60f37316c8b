/** Version of this library, as its reports carry it. A test holds it equal to the version of the package. */
export const LIBRARY_VERSION = '0.1.0';
