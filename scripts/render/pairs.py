"""Writes specs of pictures of one piece taken one after another. usage: pairs.py OUT_DIR COUNT SEED
NAME-a is the earlier, whole; NAME-b later, cut off; NAME-c later, whole; NAME-d another loom of the same make under the
same piece; NAME-e another piece on the same loom; NAME-f another loom and another piece."""
import copy, json, os, random, sys
from vary import spec
CUTS = ['right', 'left', 'bottom', 'top', 'bottom right', 'top left']

def pairs(name, seed, at):
    r = random.Random(seed*7+1)
    a = spec(name+'-a', seed, False); a['clutter'] = []; a['scale_card'] = None; a['defects'].pop('missing', None)
    a['res'] = [1500, 2000]; a['post']['q'] = 85; a['camera']['roll'] = r.uniform(-4, 4); a['mask_margin'] = 1
    L, P = a['loom'], a['plan']; bar = L['bar']
    distance = max(L['inner_height']+2*bar, (L['inner_width']+2*bar)*4/3)
    a['camera']['dist'] = distance*1.05*30/36*1.22
    half = P['ends']*L['notch_pitch']/2; low = P['height_mm']*r.uniform(.25, .4); high = low+P['height_mm']*r.uniform(.15, .35)
    a['progress'] = dict(kind='flat', mm=low) if r.random() < .5 else dict(kind='fn', pts=[[-half-9, low], [0, low*.7], [half+9, low*.9]])
    def series(loom, piece): return dict(grain=[r.uniform(-500, 500) for _ in range(3)] if loom else None, yarn=[r.uniform(-500, 500) for _ in range(3)] if piece else None, piece='%d %s' % (seed, r.random()))
    a['series'] = series(True, True)
    def later(kind, cut):
        s = copy.deepcopy(a); s['name'] = '%s-%s' % (name, kind); c = s['camera']
        s['progress'] = dict(kind='flat', mm=high) if r.random() < .5 else dict(kind='fn', pts=[[-half-9, high], [half*.2, high*.8], [half+9, high*.95]])
        c['pitch'] = r.uniform(-9, 9); c['yaw'] = r.uniform(-9, 9); c['roll'] += r.uniform(-6, 6)
        s['table_moved'] = [r.uniform(-60, 60), r.uniform(-60, 60), 0]
        for lt in s['lights']: lt['at'] = [lt['at'][0]+r.uniform(-150, 150), lt['at'][1]+r.uniform(-150, 150), lt['at'][2]]; lt['energy'] *= r.uniform(.85, 1.15)
        if cut:
            near = r.uniform(.8, .9); c['dist'] *= near; s['mask_margin'] = 1.5
            view_y = distance*1.05*1.22*near; view_x = view_y*.75
            # so far that the wood on that side, and a little of the opening, lies outside
            dx = view_x/2-(L['inner_width']/2-14); dy = view_y/2-(L['inner_height']/2-12)
            if 'left' in cut: c["target"][0] = dx
            if 'right' in cut: c['target'][0] = -dx
            if 'bottom' in cut: c['target'][1] = L['inner_height']/2+dy
            if 'top' in cut: c['target'][1] = L['inner_height']/2-dy
        return s
    out = [a, later('b', CUTS[at % len(CUTS)]), later('c', None)]
    for kind in 'def':
        s = later(kind, CUTS[at % len(CUTS)])
        other = series(True, True)
        if kind in 'df': s['series']['grain'] = other['grain']
        if kind in 'ef': s['series'].update(yarn=other['yarn'], piece=other['piece'])
        if kind in 'ef':
            for shape in s['plan']['shapes']:
                if shape['kind'] == 'band': shape['y'] = [v*.8+6 for v in shape['y']]
                if shape['kind'] == 'circle': shape['c'] = [-shape['c'][0]+9, shape['c'][1]*.8]
                if shape['kind'] == 'poly': shape['pts'] = [[-x, y*.8] for x, y in shape['pts']]
        out.append(s)
    return out

if __name__ == '__main__':
    out, count, seed = sys.argv[1], int(sys.argv[2]), int(sys.argv[3]); os.makedirs(out, exist_ok=True)
    for k in range(count):
        for s in pairs('p%04d' % (seed+k), seed+k, k): json.dump(s, open('%s/%s.json' % (out, s['name']), 'w'))
