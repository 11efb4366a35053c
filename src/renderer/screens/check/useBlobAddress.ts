import { useEffect, useState } from 'react';

/** An address for a picture the page itself holds, given back when it is no longer shown. */
export function useBlobAddress(picture: Blob | null): string | null {
  const [address, setAddress] = useState<string | null>(null);
  useEffect(() => {
    if (picture === null) {
      setAddress(null);
      return;
    }
    const next = URL.createObjectURL(picture);
    setAddress(next);
    return () => URL.revokeObjectURL(next);
  }, [picture]);
  return address;
}
