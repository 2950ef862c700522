package readme

import (
	"bytes"
	"context"
	"fmt"
	"os"
	"os/exec"
	"path/filepath"
	"regexp"
	"slices"
	"strconv"
	"strings"
	"testing"

	"go.yaml.in/yaml/v4"

	"rowlight/cmd/site/build"
)

// The README's pieces of a region, run as an array job and as an indexed Job would run them, are the region.

// submit stands in for the command that submits an array job: it runs the wrapped commands once for each index, in
// the folder in which it is called.
const submit = `#!/bin/sh -e
while [ $# -gt 0 ]; do
	case "$1" in
	--array=*) array=${1#--array=} ;;
	--wrap) wrapped=$2; shift ;;
	*) echo "$0: cannot take $1" >&2; exit 2 ;;
	esac
	shift
done
for index in $(seq "${array%-*}" "${array#*-}"); do
	SLURM_ARRAY_TASK_ID=$index sh -c "$wrapped"
done
`

// indexedJob is what the README's manifest may say. A key that is not here is a fault.
type indexedJob struct {
	APIVersion string `yaml:"apiVersion"`
	Kind       string
	Metadata   struct{ Name string }
	Spec       struct {
		CompletionMode string `yaml:"completionMode"`
		Completions    int
		Parallelism    int
		Template       struct {
			Spec struct {
				RestartPolicy string `yaml:"restartPolicy"`
				Containers    []container
				Volumes       []volume
			}
		}
	}
}

type container struct {
	Name         string
	Image        string
	WorkingDir   string `yaml:"workingDir"`
	Command      []string
	VolumeMounts []struct {
		Name      string
		MountPath string `yaml:"mountPath"`
	} `yaml:"volumeMounts"`
}

type volume struct {
	Name                  string
	PersistentVolumeClaim struct {
		ClaimName string `yaml:"claimName"`
	} `yaml:"persistentVolumeClaim"`
}

func readJob(manifest string) (job indexedJob, err error) {
	decoder := yaml.NewDecoder(strings.NewReader(manifest))
	decoder.KnownFields(true)
	return job, decoder.Decode(&job)
}

// faults lists what keeps the Job from running so many pieces and keeping what they write. From the Kubernetes API
// reference, Job v1 batch, and its pages on Jobs and volumes, from memory.
func (j indexedJob) faults(pieces int) (faults []string) {
	want := func(holds bool, format string, args ...any) {
		if !holds {
			faults = append(faults, fmt.Sprintf(format, args...))
		}
	}
	pod := j.Spec.Template.Spec
	want(j.APIVersion == "batch/v1" && j.Kind == "Job", "%s %s is not a Job of batch/v1", j.APIVersion, j.Kind)
	want(regexp.MustCompile(`^[a-z0-9]([-a-z0-9]{0,61}[a-z0-9])?$`).MatchString(j.Metadata.Name), "%q is no name for pods with an index", j.Metadata.Name)
	want(j.Spec.CompletionMode == "Indexed", "completion mode %q numbers no pods", j.Spec.CompletionMode)
	want(j.Spec.Completions == pieces, "%d completions for %d pieces", j.Spec.Completions, pieces)
	want(j.Spec.Parallelism >= 1 && j.Spec.Parallelism <= pieces, "%d pods at once for %d pieces", j.Spec.Parallelism, pieces)
	want(pod.RestartPolicy == "Never" || pod.RestartPolicy == "OnFailure", "restart policy %q is not for Jobs", pod.RestartPolicy)
	want(len(pod.Containers) == 1, "%d containers for one command", len(pod.Containers))
	for _, c := range pod.Containers {
		want(c.Name != "" && c.Image != "", "the container lacks a name or an image")
		want(len(c.Command) > 0, "the container runs what its image likes")
		kept := false
		for _, mount := range c.VolumeMounts {
			claimed := slices.ContainsFunc(pod.Volumes, func(v volume) bool {
				return v.Name == mount.Name && v.PersistentVolumeClaim.ClaimName != ""
			})
			want(claimed, "no claim backs the volume %q", mount.Name)
			kept = kept || claimed && mount.MountPath == c.WorkingDir
		}
		want(kept, "what pods write to %q ends with them", c.WorkingDir)
	}
	return faults
}

// batch is what the README says of running pieces.
type batch struct {
	region   Example  // writes the whole
	script   string   // piece.sh
	pieces   int      // into which it parts the whole
	array    string   // the line that submits an array job
	manifest string   // of the indexed Job
	held     []string // names of what its volume holds
}

// found takes the part in brackets out of a text, which must be there.
func found(t *testing.T, text, pattern string) string {
	t.Helper()
	match := regexp.MustCompile(pattern).FindStringSubmatch(text)
	if match == nil {
		t.Fatalf("the README has no %s", pattern)
	}
	return match[1]
}

// readBatch reads it from the README at the root.
func readBatch(t *testing.T) (b batch, root string) {
	t.Helper()
	root, err := build.FindRoot(".")
	if err != nil {
		t.Fatal(err)
	}
	raw, err := os.ReadFile(filepath.Join(root, "README.md"))
	if err != nil {
		t.Fatal(err)
	}
	text := string(raw)
	examples, err := Examples(text)
	if err != nil {
		t.Fatal(err)
	}
	at := slices.IndexFunc(examples, func(e Example) bool { return strings.Contains(e.Commands, "-o region.csv") })
	if at < 0 {
		t.Fatal("no example writes region.csv")
	}
	b.region = examples[at]
	b.script = found(t, text, `(?s)\ncat > piece\.sh <<'END'\n(.*?)END\n`)
	b.pieces, _ = strconv.Atoi(found(t, b.script, `--shard "\$INDEX/(\d+)"`))
	b.array = found(t, text, "```sh\n(sbatch .*\n)```")
	b.manifest = found(t, text, "(?s)```yaml\n(apiVersion: .*?)```")
	held := found(t, text, "a volume that holds ([^,;:.]*`[^,;:]*)")
	for _, name := range regexp.MustCompile("`([^`]+)`").FindAllStringSubmatch(held, -1) {
		b.held = append(b.held, name[1])
	}
	return b, root
}

func TestPiecesUnderBatchSystems(t *testing.T) {
	ctx := context.Background()
	b, root := readBatch(t)
	bench, err := NewBench(ctx, root, t.TempDir())
	if err != nil {
		t.Fatal(err)
	}
	if _, err := bench.Run(ctx, b.region); err != nil {
		t.Fatal(err)
	}
	whole, err := os.ReadFile(filepath.Join(bench.dir, "region.csv"))
	if err != nil {
		t.Fatal(err)
	}

	t.Run("array job", func(t *testing.T) {
		commands, folder := t.TempDir(), b.folder(t, root, "piece.sh", "testdata")
		if err := os.WriteFile(filepath.Join(commands, "sbatch"), []byte(submit), 0o755); err != nil {
			t.Fatal(err)
		}
		run(t, folder, []string{"sh", "-e", "-c", b.array}, "PATH="+commands+":"+bench.dir+":"+os.Getenv("PATH"))
		b.together(t, folder, whole)
	})

	t.Run("indexed job", func(t *testing.T) {
		job, err := readJob(b.manifest)
		if err != nil {
			t.Fatal(err)
		}
		if faults := job.faults(b.pieces); len(faults) > 0 {
			t.Fatal(strings.Join(faults, "\n"))
		}
		// The volume hides what the image has in its place, so pods find there what the volume holds and nothing else.
		volume := b.folder(t, root, b.held...)
		for index := range job.Spec.Completions {
			run(t, volume, job.Spec.Template.Spec.Containers[0].Command,
				"PATH="+bench.dir+":"+os.Getenv("PATH"), fmt.Sprintf("JOB_COMPLETION_INDEX=%d", index))
		}
		b.together(t, volume, whole)
	})
}

// folder makes a folder with what is named.
func (b *batch) folder(t *testing.T, root string, names ...string) string {
	t.Helper()
	dir := t.TempDir()
	for _, name := range names {
		var err error
		switch name {
		case "piece.sh":
			err = os.WriteFile(filepath.Join(dir, name), []byte(b.script), 0o644)
		default:
			err = os.Symlink(filepath.Join(root, name), filepath.Join(dir, name))
		}
		if err != nil {
			t.Fatal(err)
		}
	}
	return dir
}

// run runs a command in a folder with nothing but the environment that is given.
func run(t *testing.T, dir string, command []string, environment ...string) {
	t.Helper()
	cmd := exec.Command(command[0], command[1:]...)
	cmd.Dir, cmd.Env = dir, environment
	if printed, err := cmd.CombinedOutput(); err != nil {
		t.Fatalf("%q: %v\n%s", command, err, printed)
	}
}

// together wants the pieces in a folder, one after the other, to be the whole.
func (b *batch) together(t *testing.T, dir string, whole []byte) {
	t.Helper()
	var joined []byte
	for index := range b.pieces {
		piece, err := os.ReadFile(filepath.Join(dir, fmt.Sprintf("piece-%d.csv", index)))
		if err != nil {
			t.Fatal(err)
		}
		if len(piece) == 0 || len(piece) == len(whole) {
			t.Errorf("piece %d holds %d of %d bytes", index, len(piece), len(whole))
		}
		joined = append(joined, piece...)
	}
	if !bytes.Equal(joined, whole) {
		t.Errorf("the pieces together are\n%s\nthe whole is\n%s", joined, whole)
	}
	if written, _ := filepath.Glob(filepath.Join(dir, "piece-*.csv")); len(written) != b.pieces {
		t.Errorf("%d pieces are written as %q", b.pieces, written)
	}
}

// A manifest that would not run every piece, or lose what it writes, is found out.
func TestFaultsOfIndexedJobs(t *testing.T) {
	b, _ := readBatch(t)
	for _, c := range []struct{ from, to, fault string }{
		{"batch/v1", "v1", "not a Job of batch/v1"},
		{"name: region\nspec", "name: Region_1\nspec", "no name for pods"},
		{"Indexed", "NonIndexed", "numbers no pods"},
		{"completions: 2", "completions: 3", "3 completions for 2 pieces"},
		{"parallelism: 2", "parallelism: 0", "0 pods at once"},
		{"restartPolicy: Never", "restartPolicy: Always", "not for Jobs"},
		{"mountPath: /region", "mountPath: /plan", "ends with them"},
		{"persistentVolumeClaim: { claimName: region }", "persistentVolumeClaim: {}", "no claim backs"},
	} {
		job, err := readJob(strings.Replace(b.manifest, c.from, c.to, 1))
		if err != nil {
			t.Errorf("%s: %v", c.to, err)
			continue
		}
		if faults := strings.Join(job.faults(b.pieces), "\n"); !strings.Contains(faults, c.fault) {
			t.Errorf("%s: faults are %q, want %q", c.to, faults, c.fault)
		}
	}
	if _, err := readJob(strings.Replace(b.manifest, "completions", "completion", 1)); err == nil {
		t.Error("a key that Jobs do not have is taken")
	}
}
