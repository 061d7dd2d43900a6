using System.Text.Json.Nodes;
using Waywright.Publishing;

namespace Waywright.Tests.Publishing;

public sealed class NotebookDocumentTests
{
    [Theory]
    [InlineData("not JSON", "book.ipynb:1:")]
    [InlineData("{ \"cells\": [ }", "book.ipynb:1:")]
    [InlineData("[]", "found JSON that is no notebook")]
    [InlineData("{ \"cells\": [] }", "found JSON that is no notebook")]
    [InlineData("{ \"nbformat\": 3, \"worksheets\": [] }", "found nbformat 3, expected nbformat 4: open the notebook in a current editor and save it")]
    [InlineData("{ \"nbformat\": \"4\", \"cells\": [] }", "found nbformat \"4\"")]
    [InlineData("{ \"nbformat\": 4 }", "found no list of cells")]
    [InlineData("{ \"nbformat\": 4, \"cells\": {} }", "found no list of cells")]
    [InlineData("{ \"nbformat\": 4, \"cells\": [ 1 ] }", "found in cell 1 something that is no object")]
    [InlineData("{ \"nbformat\": 4, \"cells\": [ { \"cell_type\": \"heading\", \"source\": \"\" } ] }", "found in cell 1 cell_type \"heading\"")]
    [InlineData("{ \"nbformat\": 4, \"cells\": [ { \"cell_type\": \"code\" } ] }", "found in cell 1 no text as its source")]
    [InlineData("{ \"nbformat\": 4, \"cells\": [ { \"cell_type\": \"code\", \"source\": [ 1 ] } ] }", "found in cell 1 no text as its source")]
    [InlineData("{ \"nbformat\": 4, \"cells\": [ { \"cell_type\": \"code\", \"source\": \"\", \"metadata\": 1 } ] }", "found in cell 1 metadata or outputs of another shape")]
    [InlineData("{ \"nbformat\": 4, \"nbformat\": 4, \"cells\": [] }", "found text that is not JSON")]
    [InlineData("{ \"nbformat\": 4, \"metadata\": { \"kernelspec\": { \"language\": \"python\" } }, \"cells\": [] }", "found a notebook for python, expected a notebook for C#")]
    [InlineData("{ \"nbformat\": 4, \"cells\": [ { \"cell_type\": \"code\", \"source\": \"\", \"id\": \"a\" }, { \"cell_type\": \"code\", \"source\": \"\", \"id\": \"a\" } ] }", "found the cell id 'a' twice")]
    public void What_is_no_notebook_for_us_is_refused_in_one_sentence(string text, string message)
    {
        var thrown = Assert.Throws<InputException>(() => NotebookDocument.Parse(text, "book.ipynb"));
        Assert.Contains(message, thrown.Message, StringComparison.Ordinal);
        Assert.Single(thrown.Problems);
        Assert.DoesNotContain('\n', thrown.Message);
    }

    [Fact]
    public void What_we_do_not_know_stays_as_it_was()
    {
        var notebook = BuildFolder.Notebook("# Title", "code");
        notebook["metadata"]!["somebody"] = new JsonObject { ["else"] = "ünïcode </script> 𝛼" };
        notebook["cells"]!.AsArray().Add(new JsonObject { ["cell_type"] = "raw", ["id"] = "r", ["metadata"] = new JsonObject { ["format"] = "text/x" }, ["source"] = "raw" });
        notebook["cells"]![0]!["attachments"] = new JsonObject { ["dial.png"] = new JsonObject { ["image/png"] = "aGFsbG8=" } };
        var written = JsonNode.Parse(NotebookDocument.Parse(notebook.ToJsonString(), "book.ipynb").ToText());
        Assert.True(JsonNode.DeepEquals(notebook, written));
    }

    [Fact]
    public void Cells_without_an_id_get_one_that_nobody_has()
    {
        var notebook = BuildFolder.Notebook("# Title", "code", "code");
        ((JsonObject)notebook["cells"]![1]!).Remove("id");
        notebook["cells"]![2]!["id"] = "cell-002";
        notebook["nbformat_minor"] = 2;
        var document = NotebookDocument.Parse(notebook.ToJsonString(), "book.ipynb");
        Assert.Equal(["c1", "cell-002-", "cell-002"], document.Cells.Select(cell => cell.Id));
        Assert.Equal(5, (int?)JsonNode.Parse(document.ToText())!["nbformat_minor"]);
    }

    [Fact]
    public void The_hash_of_the_source_is_the_same_before_and_after_a_run()
    {
        var document = NotebookDocument.Parse(BuildFolder.Notebook("# Title", "//#parameters\nint seed = 1;", "code").ToJsonString(), "book.ipynb");
        var before = document.SourceSha256();
        ParametersCell.Inject(document, [new Parameter("seed", "int", "2", "", IsSet: true)]);
        document.Cells[3].SetRun(3, [Output.Text("a\nb\n")]);
        document.Cells[3].SetFailure("Raised", "no");
        Assert.Equal(before, document.SourceSha256());
        Assert.Equal(before, NotebookDocument.Parse(document.ToText(), "book.ipynb").SourceSha256());
        document.Strip();
        Assert.Equal(before, document.SourceSha256());
        Assert.Equal(3, document.Cells.Count);
    }

    [Fact]
    public void Another_source_has_another_hash()
        => Assert.NotEqual(
            NotebookDocument.Parse(BuildFolder.Notebook("code").ToJsonString(), "book.ipynb").SourceSha256(),
            NotebookDocument.Parse(BuildFolder.Notebook("code ").ToJsonString(), "book.ipynb").SourceSha256());

    // nbformat 4.5: multi-line texts are lists of lines that keep their ends; JSON types stay JSON; execute_result has the cell's count.
    [Fact]
    public void Outputs_are_stored_as_notebook_files_have_them()
    {
        var document = NotebookDocument.Parse(BuildFolder.Notebook("code").ToJsonString(), "book.ipynb");
        document.Cells[0].SetRun(7,
        [
            Output.Text("a\nb"),
            new JsonObject { ["output_type"] = "execute_result", ["execution_count"] = 1, ["metadata"] = new JsonObject(), ["transient"] = new JsonObject(), ["data"] = new JsonObject { ["text/html"] = "<p>\n</p>", ["application/json"] = new JsonObject { ["x"] = 1 } } },
        ]);
        var outputs = JsonNode.Parse(document.ToText())!["cells"]![0]!["outputs"]!;
        Assert.Equal("""[{"name":"stdout","output_type":"stream","text":["a\n","b"]},{"output_type":"execute_result","execution_count":7,"metadata":{},"data":{"text/html":["\u003Cp\u003E\n","\u003C/p\u003E"],"application/json":{"x":1}}}]""", outputs.ToJsonString());
    }

    [Fact]
    public void The_file_is_indented_by_one_blank_and_ends_with_a_line_end()
    {
        var text = NotebookDocument.Parse(BuildFolder.Notebook("code").ToJsonString(), "book.ipynb").ToText();
        Assert.StartsWith("{\n \"cells\": [\n  {\n", text, StringComparison.Ordinal);
        Assert.EndsWith("}\n", text, StringComparison.Ordinal);
        Assert.DoesNotContain('\r', text);
    }
}
