"""Writes varied scene specs: looms, yarns, light, tilt, lens, progress, defects. usage: vary.py OUT_DIR COUNT SEED"""
import json, math, os, random, sys
from scenes import WOODS, DEF

def hexcol(r, lo=20, hi=245):
    return '#%02x%02x%02x' % tuple(r.randrange(lo, hi) for _ in range(3))

def near(r, colour, spread):
    v = [int(colour[k:k+2], 16) for k in (1, 3, 5)]
    return '#%02x%02x%02x' % tuple(max(0, min(255, c+r.randint(-spread, spread))) for c in v)

def curve(r, height, most, wide):
    """Sideways error against height: starts at 0, ends near `most`, sometimes comes back."""
    a, b = height*r.uniform(.2, .5), height*r.uniform(.6, 1)
    sign = -1 if wide else 1
    back = r.choice([1, 1, 1, .3])
    return [[0, 0], [a, sign*most*r.uniform(.2, .6)], [b, sign*most], [b*1.6, sign*most*back]]

def spec(name, seed, full):
    r = random.Random(seed)
    pitch = r.choice([4, 4.5, 5, 5, 6, 6.35, 6.35, 7, 8, 10])
    width = pitch*r.randint(44, 62) if pitch < 5.5 else pitch*r.randint(32, 52)
    height = width*r.uniform(1.0, 1.35)
    loom = dict(notch_pitch=pitch, inner_height=round(height), inner_width=round(width), bar=r.choice([20, 24, 28, 34]), thick=r.choice([14, 18, 22]))
    if r.random() < .2: loom['nails'] = True
    notches = int(loom['inner_width']//pitch)
    ends = r.randint(int(notches*.5), int(notches*.8))
    doubled = pitch >= 6 and r.random() < .7
    diameter = pitch*(r.uniform(.18, .27) if doubled else r.uniform(.24, .36))
    base = r.choice([30, 40, 55, 70]); cloth = min(loom['inner_height']-base-50, 260)
    p = pitch*r.uniform(.14, .24); half = ends*pitch/2
    slack = (notches-ends)//2
    offset = r.choice([0, 0, 0, 1, -1, 3, -4]) if slack > 5 else 0
    warp = r.choice(['#e9e2d0', '#e9e2d0', '#f2efe6', '#cbb894', '#8d8577', '#39393c', '#b3402f'])
    yarns = [hexcol(r) for _ in range(3)]
    if r.random() < .3: yarns[0] = near(r, warp, 12)      # weft of the warp's colour
    shapes = []
    for k in range(r.randint(1, 3)):
        y = r.choice([1, 2])
        shapes.append(r.choice([
            lambda: dict(kind='circle', c=[r.uniform(-.5, .5)*half, r.uniform(.2, .7)*cloth], r=half*r.uniform(.2, .5), yarn=y),
            lambda: dict(kind='band', y=sorted([r.uniform(.05, .8)*cloth, r.uniform(.05, .8)*cloth]), yarn=y),
            lambda: dict(kind='poly', pts=[[-half*r.uniform(.2, .9), cloth*r.uniform(.05, .3)], [half*r.uniform(.2, .9), cloth*r.uniform(.05, .3)], [half*r.uniform(-.4, .4), cloth*r.uniform(.4, .9)]], yarn=y)])())
    top = cloth*r.uniform(.15, .9); kind = r.random()
    if kind < .3: progress = dict(kind='flat', mm=top)
    elif kind < .55:
        low = top*r.uniform(.2, .6); at = r.uniform(-.4, .4)*half
        progress = dict(kind='fn', pts=[[-half-9, top], [at-half*.5, top*r.uniform(.85, 1)], [at, low], [at+half*.5, top*r.uniform(.75, 1)], [half+9, top]])
    elif kind < .75:
        progress = dict(kind='fn', pts=[[-half-9, top*r.uniform(.3, .6)], [-half*.3, top*r.uniform(.4, .7)], [0, top], [half*.4, top*r.uniform(.4, .7)], [half+9, top*r.uniform(.2, .6)]])
    else:
        cut = r.uniform(-.5, .5)*half; other = top*r.uniform(.3, .8)
        progress = dict(kind='fn', pts=[[-half-9, top], [cut, top], [cut+.1, other], [half+9, other]])
    if r.random() < .08: progress = dict(kind='flat', mm=4*p)
    big = r.choice([0, 0, .7, 1.5, 3.5, 6, 9])
    defects = dict(drawin_left=curve(r, cloth, big*r.uniform(.2, 1), r.random() < .2), drawin_right=curve(r, cloth, big*r.uniform(.2, 1), r.random() < .2))
    if big == 0: defects = dict(DEF['none'])
    if r.random() < .3: defects['beat'] = [[0, 1], [cloth*.3, r.uniform(.88, 1.0)], [cloth, r.uniform(.82, 1.2)]]
    if r.random() < .25: defects['spread'] = [r.uniform(-.5, .5)*half, half*r.uniform(.15, .3), r.uniform(-1.2, 2)]
    if r.random() < .2: defects['fell_tilt'] = r.uniform(-4, 4)
    if r.random() < .2: defects['missing'] = sorted(r.sample(range(2, ends-2), r.choice([1, 1, 2])))
    bk = r.choice(['wood', 'plain', 'plain', 'linen', 'checker', 'stripes'])
    bc = hexcol(r, 40, 235); background = dict(kind=bk, c=[bc, near(r, bc, 60)], scale=r.uniform(.15, .4))
    sun = r.random() < .3; side = r.choice([-1, 1])
    lights = [dict(kind='SUN', energy=r.uniform(3, 5), angle=r.choice([.01, .03, .1]), at=[side*600, r.choice([-300, 500]), 700])] if sun else [dict(kind='AREA', size=r.choice([300, 900, 1500]), energy=1500*(loom['inner_height']/400)**2, at=[side*500, r.choice([-200, 700]), 900], color=r.choice([[1, 1, 1], [1, .86, .7], [.85, .92, 1]]))]
    clutter = []
    if r.random() < .3: clutter.append(['box', -loom['inner_width']/2-loom['bar']-30, height*r.uniform(.2, .8), -20, 120, 18, r.uniform(60, 120), hexcol(r)])
    if r.random() < .2: clutter.append([r.choice(['ball', 'box']), r.uniform(-.6, .6)*half, base+top+r.uniform(-5, 30), 8, 90, 18, r.uniform(-25, 25), r.choice(['#c98f6f', '#6b4a2f', '#d8c7a4'])])
    vertical = r.random() < .8; roll = r.uniform(-5, 5)+(0 if vertical else r.choice([90, -90])) 
    res = r.choice([[1125, 1500], [1500, 2000], [1500, 2000]]) if not full else [2250, 3000]
    portrait = vertical or r.random() < .5
    distance = max(loom['inner_height']+2*loom['bar'], (loom['inner_width']+2*loom['bar'])*4/3)*r.uniform(.92, 1.15)
    if not vertical: distance = max((loom['inner_height']+2*loom['bar'])*4/3, loom['inner_width'])*r.uniform(.92, 1.1) if portrait else distance
    if not portrait: res = res[::-1]
    if vertical is False and not portrait: distance = max(loom['inner_height']+2*loom['bar'], (loom['inner_width']+2*loom['bar'])*4/3)*r.uniform(.92, 1.1)
    return dict(name=name, seed=seed, res=res, samples=12, exposure=.4 if sun else r.uniform(1.2, 1.8), wood=r.choice(WOODS), loom=loom,
      plan=dict(ends=ends, offset=offset, pass_mm=p, base_mm=base, height_mm=round(cloth), header_passes=r.choice([2, 4, 6, 8]), ground=0, ground_header=r.choice([0, 1]), shapes=shapes),
      progress=progress, defects=defects, warp=dict(diameter=round(diameter, 2), color=warp, doubled=doubled), yarns=yarns, background=background, gap=r.choice([4, 10, 25]),
      marks=r.random() < .3, tails=r.choice([0, 1, 2, 4]), hairs=r.choice([0, 0, 200, 500]), clutter=clutter, card=r.random() < .6, twining=r.random() < .85, lights=lights,
      camera=dict(lens=30, target=[r.uniform(-8, 8), loom['inner_height']/2+r.uniform(-8, 8), 0], pitch=r.uniform(-10, 10), yaw=r.uniform(-9, 9), roll=roll, dist=distance*30/36*1.22, dof=None),
      scale_card=dict(color='#7d1f2a', x=r.uniform(-40, 0), y=base+top+25, z=1.2, deg=r.uniform(-15, 15)) if r.random() < .12 and cloth-top > 90 and not clutter else None,
      post=dict(k1=r.choice([-.05, -.03, -.01, 0, .02]), noise=r.choice([1, 3, 3, 6]), blur=r.choice([.5, .7, 1, 1.4]), q=r.choice([75, 88, 92])))

if __name__ == '__main__':
    out, count, seed = sys.argv[1], int(sys.argv[2]), int(sys.argv[3]); os.makedirs(out, exist_ok=True)
    for k in range(count):
        name = 'v%04d' % (seed+k); json.dump(spec(name, seed+k, (seed+k) % 6 == 5), open(f'{out}/{name}.json', 'w'))
