"""Corners of the chessboard photographs by OpenCV, independent of our own code.
usage: /usr/bin/python3 chessboardCorners.py OUT.json PICTURE..."""
import json, sys, cv2
out = {}
for name in sys.argv[2:]:
    grey = cv2.imread(name, 0)
    found, corners = cv2.findChessboardCorners(grey, (9, 6))
    if not found: continue
    corners = cv2.cornerSubPix(grey, corners, (5, 5), (-1, -1), (3, 50, 1e-4))
    out[name.split('/')[-1]] = dict(width=grey.shape[1], height=grey.shape[0], columns=9, rows=6, corners=[[round(float(a), 3) for a in c[0]] for c in corners])
json.dump(out, open(sys.argv[1], 'w'))
print({k: len(v['corners']) for k, v in out.items()})
