"""NIST StRD Filip (polynomial of degree 10, 82 points): exact rational least squares on the printed decimals.
usage: nist_filip.py OUT"""
import sys
from nist_fns import *

DATA = """
0.8116 -6.860120914 0.9072 -4.324130045 0.9052 -4.358625055 0.9039 -4.358426747 0.8053 -6.955852379 0.8377 -6.661145254
0.8667 -6.355462942 0.8809 -6.118102026 0.7975 -7.115148017 0.8162 -6.815308569 0.8515 -6.519993057 0.8766 -6.204119983
0.8885 -5.853871964 0.8859 -6.109523091 0.8959 -5.79832982 0.8913 -5.482672118 0.8959 -5.171791386 0.8971 -4.851705903
0.9021 -4.517126416 0.909 -4.143573228 0.9139 -3.709075441 0.9199 -3.499489089 0.8692 -6.300769497 0.8872 -5.953504836
0.89 -5.642065153 0.891 -5.031376979 0.8977 -4.680685696 0.9035 -4.329846955 0.9078 -3.928486195 0.7675 -8.56735134
0.7705 -8.363211311 0.7713 -8.107682739 0.7736 -7.823908741 0.7775 -7.522878745 0.7841 -7.218819279 0.7971 -6.920818754
0.8329 -6.628932138 0.8641 -6.323946875 0.8804 -5.991399828 0.7668 -8.781464495 0.7633 -8.663140179 0.7678 -8.473531488
0.7697 -8.247337057 0.77 -7.971428747 0.7749 -7.676129393 0.7796 -7.352812702 0.7897 -7.072065318 0.8131 -6.774174009
0.8498 -6.478861916 0.8741 -6.159517513 0.8061 -6.835647144 0.846 -6.53165267 0.8751 -6.224098421 0.8856 -5.910094889
0.8919 -5.598599459 0.8934 -5.290645224 0.894 -4.974284616 0.8957 -4.64454848 0.9047 -4.290560426 0.9129 -3.885055584
0.9209 -3.408378962 0.9219 -3.13200249 0.7739 -8.726767166 0.7681 -8.66695597 0.7665 -8.511026475 0.7703 -8.165388579
0.7702 -7.886056648 0.7761 -7.588043762 0.7809 -7.283412422 0.7961 -6.995678626 0.8253 -6.691862621 0.8602 -6.392544977
0.8809 -6.067374056 0.8301 -6.684029655 0.8664 -6.378719832 0.8834 -6.065855188 0.8898 -5.752272167 0.8964 -5.132414673
0.8963 -4.811352704 0.9074 -4.098269308 0.9119 -3.66174277 0.9228 -3.2644011
""".split()
ys, xs = DATA[0::2], DATA[1::2]
DEGREE = 10

def solve(conv):
    y = [conv(v) for v in ys]; X = [[conv(x) ** d for d in range(DEGREE + 1)] for x in xs]
    beta, inv, rss = exact_ls(X, y); n, p = len(y), len(beta); s2 = rss / (n - p); tss = sum((v - sum(y) / n) ** 2 for v in y)
    return {"n": n, "beta": [fl(b) for b in beta], "se": [float(sq(s2 * inv[i][i])) for i in range(p)], "residual_sd": float(sq(s2)), "R2": fl(1 - rss / tss), "RSS": fl(rss)}

g = Group(sys.argv[1], "03f_filip_nist.json", "linear regression", "NIST StRD Filip: the hardest of the linear sets")
g.add("nist_linear_filip", "ordinary least squares", {"author": "NIST", "title": "StRD Linear Least Squares Regression: Filip", "level": "higher", "url": URL + "lls/data/Filip.dat",
      "where": "data and certified values as quoted in the regression tests of Apache Commons Math (MillerUpdatingRegression); the NIST file itself was not retrieved"},
      {"y": [float(v) for v in ys], "x": [float(v) for v in xs], "model": "polynomial degree 10"}, solve(Fr), {"rel": 1e-7, "vs_doubles_rel": 1e-8, "zero_abs": 1e-7, "published_rel": 1e-9}, "certified",
      published={"beta": [-1467.48961422980, -2772.17959193342, -2316.37108160893, -1127.97394098372, -354.478233703349, -75.1242017393757, -10.8753180355343, -1.06221498588947, -0.670191154593408e-01, -0.246781078275479e-02, -0.402962525080404e-04],
                 "se": [298.084530995537, 559.779865474950, 466.477572127796, 227.204274477751, 71.6478660875927, 15.2897178747400, 2.23691159816033, 0.221624321934227, 0.142363763154724e-01, 0.535617408889821e-03, 0.896632837373868e-05],
                 "R2": 0.996727416185620, "RSS": 0.795851382172941e-03},
      expected_from_doubles=solve(lambda s: Fr(float(s))),
      note="expected = exact rational least squares; published = NIST certified. expected_from_doubles = the same after rounding each datum to IEEE double.")
g.write()
